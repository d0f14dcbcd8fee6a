import{u as t,a as e,P as r}from"./index-i2VKTpNF.js";function n(a){const{fieldDay:o}=t();return e("main",{children:e(r,{title:o.title})})}export{n as Room};
