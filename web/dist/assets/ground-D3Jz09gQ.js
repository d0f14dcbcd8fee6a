import{u as t,a as o,P as e}from"./index-i2VKTpNF.js";function i(n){const{ground:r}=t();return o("main",{children:o(e,{title:r.title})})}export{i as Room};
