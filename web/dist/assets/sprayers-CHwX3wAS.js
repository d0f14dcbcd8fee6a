import{u as o,a as r,P as t}from"./index-i2VKTpNF.js";function i(s){const{sprayers:e}=o();return r("main",{children:r(t,{title:e.title})})}export{i as Room};
